#!/usr/bin/env node
// Stands here before anything is built, so that installing finds it to link.
import '../dist/main.js'
